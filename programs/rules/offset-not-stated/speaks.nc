%
O1 (no work offset)
G21 G90 G17 G94
G0 X0. Y0. Z1. ; expect offset-not-stated warning: G54 or the offset meant, before the first move
M30
%
