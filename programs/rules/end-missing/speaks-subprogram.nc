%
O1 (the subprogram has no M99)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P100
M30
O100
G0 X1. ; expect end-missing error: subprogram O100 ends without M99 && M99 as its last block
%
