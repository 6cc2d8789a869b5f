%
O1 (no motion code and feed zero, and later again behind a feed)
G21 G90 G17 G94
G54
G4 P0.1
X1. F0. ; expect feed-missing error x2: a feed move at feed 0 && F is 0 since line 6, nor G0 to G3, so that G1 is assumed && G0 in this block where the move is to be rapid, else G1 and F | expect start-state-assumed warning: motion not stated, G1 assumed
F100. X2.
G1 X3. F0.
M30
%
