%
O1 (at each end of the travel, the second time farther)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
X170.0001 ; expect outside-travel error x2: X reaches 150.0001 mm on the machine, its travel ends at 150 mm && X 170.0001 mm in the program, shifted by -20 mm (offset); travel from machine.travel.X
X-130.0001 ; expect outside-travel error x2: X reaches -150.0001 mm on the machine, its travel ends at -150 mm && X -130.0001 mm in the program, shifted by -20 mm (offset); travel from machine.travel.X
X170.0003
X-130.0004
X0.
M5
M30
%
