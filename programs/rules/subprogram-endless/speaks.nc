%
O1 (a subprogram that calls itself)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P100
M30
O100
G0 X1.
M98 P100 ; expect subprogram-endless error: O100
M99
%
