%
O1 (neither a motion code nor a feed: the retract of a program that was cut in two)
G21 G90 G17 G94
G54
X0. Y0. Z1. ; expect feed-missing error x2: a feed move, and no feed was given before it && no F stands in this block or before it, nor G0 to G3, so that G1 is assumed && G0 in this block where the move is to be rapid, else G1 and F | expect start-state-assumed warning: motion not stated, G1 assumed
X1.
M30
%
