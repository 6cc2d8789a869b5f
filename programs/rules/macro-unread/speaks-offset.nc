%
O1 (a work offset in doubt, then a code that is not known: each with the moves it leaves unchecked)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
IF [#1 GT 2] G55 ; expect macro-unread warning: a condition is not read: IF && unknown from here on: feed, tool selected, work offset, X, Y, Z, parameters && the blocks behind it are taken in the order written, each once && not or not wholly checked for it: the moves of 3 blocks, from line 7 to line 10
G0 X0. Y0. Z1.
X1.
G54 F100. T1 M6 ; expect tool-unlisted warning: tool 1 is not on the sheet && nothing that depends on this tool is checked
X0. Y0. Z1. ; expect length-offset-missing error: tool 1 moves in Z without a length offset since its change && put in the spindle at line 9, no G43 since
X1. Z2.
G#1 X2. ; expect code-unknown warning: G[...] has no known meaning && neither the language nor machine.codes gives it one
X3. Y0. Z1.
M30
%
