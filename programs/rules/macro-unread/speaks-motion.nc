%
O1 (which motion is in force is in doubt; the last move stands beside the end)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 Y0.5 F100.
IF [#1 GT 2] G3 ; expect macro-unread warning: a condition is not read: IF && unknown from here on: feed, tool selected, motion, parameters, X, Y, Z && the blocks behind it are taken in the order written, each once && not or not wholly checked for it: the moves of 4 blocks, from line 8 to line 12
X1.
Z0.5
#2=1
G1 X0. Y0. F100.
X2. M30
%
