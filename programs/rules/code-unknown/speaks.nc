%
O1 (a code of the machine's own that the sheet does not name)
G21 G90 G17 G94
G54
M71 ; expect code-unknown warning @1: M71
G0 X0. Y0. Z1.
M30
%
