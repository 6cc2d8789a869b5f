%
O1 (measured behind the tool change)
G21 G90 G17 G94
G54
M71
T3 M6
G43 H3
S20000 M3
M72
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60.
G0 Z1.
M5
M30
%
