%
O1 (no feed before the first feed move)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. ; expect feed-missing error: no feed was given
X2. F0. ; expect feed-missing error: at feed 0 && F is 0 since line 7
M30
%
