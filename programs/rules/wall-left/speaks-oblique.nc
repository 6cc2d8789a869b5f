%
O1 (slots along a diagonal)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-2.2 Y-2. Z1.
Z-0.01
G1 X0.5 Y0.7 F100.
G0 Z1.
X-2.2 Y-1.4
Z-0.01
G1 X0. Y0.8 ; expect wall-left note: stands between passes && at X-0.63 Y-0.13, 2.448 mm long, up to Z0; good to a cell of 4 µm && the level on the other side begins at line 10
G0 Z1.
M5
M30
%
