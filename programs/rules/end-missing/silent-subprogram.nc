%
O2 (a subprogram of its own)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M99
%
