%
O1 (the same within the budget)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P100 L31
M30
O100
G0 X1.
M99
%
