%
O1 (compensation on at the end)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 G41 D3 X1. F100.
X2.
M30 ; expect compensation-left-on warning: G41 is still on at the end && G40 in a move off the part, before the end && on since line 6
%
