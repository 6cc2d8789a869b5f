%
O1 (one increment too far in X, then in Z)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
X170.0001 ; expect outside-travel error: X reaches 150.0001 mm on the machine, its travel ends at 150 mm && X 170.0001 mm in the program, shifted by -20 mm (offset); travel from machine.travel.X
X0.
Z45.0001 ; expect outside-travel error: Z reaches 5.0001 mm on the machine, its travel ends at 5 mm && Z 45.0001 mm in the program, shifted by -40 mm (offset and tool length); travel from machine.travel.Z
X-1. Y0.
G1 Y-113. F500.
G2 X1. I1. J0. ; arcs with their farthest points
G0 Z1.
M5
M30
%
