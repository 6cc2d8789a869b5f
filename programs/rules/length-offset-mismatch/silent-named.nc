%
O1 (the sheet names H13 for tool 3)
G21 G90 G17 G94
G54
T3 M6
G0 X0. Y0.
G43 H13 Z1.
M30
%
