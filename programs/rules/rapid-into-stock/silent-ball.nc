%
O1 (back through the trough of a ball)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 X-3.
X0.
X1. Z0.1
G0 Z1.
M5
M30
%
