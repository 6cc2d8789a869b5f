%
O1 (a full turn of 1.2566 mm, whose fall of 3° is 0.06586 mm)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0.2 Y0. Z1.
Z0.
G2 X0.2 Y0. Z-0.0658 I-0.2 J0. F100.
G0 Z1.
M5
M30
%
