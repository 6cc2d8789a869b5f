%
O1 (walls of 36 and 20 um: the second, thinner one counts)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-0.436 Z1.
Z-0.01
G1 X0. F100.
G0 Z1.
X-3. Y0.
Z-0.01
G1 X0. ; expect wall-left note x2: a sliver 36 µm wide stands between passes, a tenth of the tool is 40 µm && the level on the other side begins at line 10
G0 Z1.
X-3. Y0.42
Z-0.01
G1 X0.
G0 Z1.
M5
M30
%
