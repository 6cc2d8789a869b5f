%
O1 (the steps run out in a subprogram that is called often)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
IF [#1 GT 2] GOTO 100 ; expect macro-unread warning: a condition is not read: IF && unknown from here on: feed, tool selected, parameters, X, Y, Z && the blocks behind it are taken in the order written, each once && not or not wholly checked for it: the moves of 1 block, at line 7
G0 X0. Y0. Z1.
G1 F100.
M98 P100 L1000
M30
O100 ; expect budget-of-steps-reached error: the budget of 500 steps is used up; the rest is not checked && the budget is machine.control.step_budget; repeats count each time
X1.
X0.
M99
%
