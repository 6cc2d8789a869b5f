%
O1 (a subprogram behind the end)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P2
M30
O2
G1 X1. F100.
M99
%
