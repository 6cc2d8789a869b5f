%
O1 (no motion code in one block, feed zero in another)
G21 G90 G17 G94
G54
X1. F100. ; expect start-state-assumed warning: motion not stated, G1 assumed
X2. F0. ; expect feed-missing error: a feed move at feed 0 && F is 0 since line 6 && F in this block or before it
M30
%
