%
O1 (a G92 shift that is taken back)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G92 X1.
G1 X2. F100.
G92.1
M30
%
