%
O1 (a roughing slot: its walls are cut away later)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.05
G1 X3. F10.
G0 Z1.
M5
M30
%
