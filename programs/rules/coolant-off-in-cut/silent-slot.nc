%
O1 (back through a slot with coolant off, above its floor)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
M8
Z-0.1
G1 X3. F60.
M9
Z-0.0999
X1.
G0 Z1.
M5
M30
%
