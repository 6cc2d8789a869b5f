%
O1 (five ten-thousandths of an inch are 127 increments)
G20 G90 G17 G94
G54
G0 X0. Y0. Z0.1
G1 X0.0005 F5.
M30
%
