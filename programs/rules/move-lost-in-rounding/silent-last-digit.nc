%
O1 (half an increment is rounded up, and moves one)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. F100.
X1.00005 (hairline: accept digits-below-resolution: it moves one increment)
M30
%
