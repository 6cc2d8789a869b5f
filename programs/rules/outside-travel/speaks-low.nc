%
O1 (one increment too low)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X170. Y0. Z1.
Z-80.0001 ; expect outside-travel error: Z reaches -120.0001 mm on the machine, its travel ends at -120 mm && Z -80.0001 mm in the program, shifted by -40 mm (offset and tool length); travel from machine.travel.Z
Z1.
X0.
M5
M30
%
