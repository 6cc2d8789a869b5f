%
O1 (two statements; each is told with the blocks behind it)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 Y0.5 F100.
X1. ,R0.2 ; expect macro-unread warning x2: corner rounding or chamfer is not read: ,R
Y1.
X1. Y2. F100.
Y3. ,R0.2
X2.
X3. Y1. Z1. F100.
X2.
M30
%
