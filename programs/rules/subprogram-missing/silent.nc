%
O1 (the subprogram stands behind the end)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P100 L2
M30
O100
G0 X1.
M99
%
