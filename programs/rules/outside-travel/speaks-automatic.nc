%
O1 (the control applies the tool's length by itself)
G21 G90 G17 G94
G54
T3 M6
S30000 M3
G0 X-3. Y0. Z1.
Z45.
Z45.0001 ; expect outside-travel error: Z reaches 5.0001 mm on the machine, its travel ends at 5 mm && Z 45.0001 mm in the program, shifted by -40 mm (offset and tool length); travel from machine.travel.Z
Z1.
M5
M30
%
