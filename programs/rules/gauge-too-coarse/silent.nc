%
O1 (a gauge that just does)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M30
%
