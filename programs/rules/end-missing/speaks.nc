%
O1 (nothing ends it)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1. ; expect end-missing error: M30 as the last block
%
