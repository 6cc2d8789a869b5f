%
O1 (a move of one increment, and a block that says the same place again)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. F100.
X1.0001
X1.0001
M30
%
