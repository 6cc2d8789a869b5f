%
O1 (two motions in one block)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 G0 X1. F100. ; expect codes-conflict error: G1 and G0 in one block
M30
%
