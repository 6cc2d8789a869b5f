%
O1 (the cone is still thinner than the slot is wide)
G21 G90 G17 G94
G54
T4 M6
G43 H4
S30000 M3
G0 X-3. Y0. Z1.
Z-0.4
G1 X3. F100.
Z-0.52
X-3.
G0 Z1.
M5
M30
%
