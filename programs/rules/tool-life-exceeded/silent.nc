%
O1 (a slot as long as the tool lasts)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z0.
G1 Z-0.02 F30.
X1. F100.
X1.98
G0 Z1.
M5
M30
%
