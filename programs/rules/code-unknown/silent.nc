%
O1 (the sheet names it)
G21 G90 G17 G94
G54
M71
G0 X0. Y0. Z1.
M30
%
