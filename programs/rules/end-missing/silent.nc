%
O1 (M2 ends it as well)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M2
%
