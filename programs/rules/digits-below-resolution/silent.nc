%
O1 (four digits after the point, and a fifth that is zero)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1.0001 F100.
X1.00020
M30
%
