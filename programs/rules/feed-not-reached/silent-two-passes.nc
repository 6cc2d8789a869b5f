%
O1 (slow ends in the air count in part, and not together)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G61
G1 X3. F600.
G1 Y0.6
X-3.
G64
G0 Z1.
M5
M30
%
