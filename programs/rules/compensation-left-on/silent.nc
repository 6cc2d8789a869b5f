%
O1 (compensation off before the end)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 G41 D3 X1. F100.
X2.
G40 X3.
M30
%
