%
O1 (compensation on at a tool change)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 G42 D3 X1. F100.
T4 M6 ; expect tool-unlisted warning: tool 4 | expect compensation-left-on warning: G42 is still on at the tool change && on since line 6 && G40 in a move off the part, before the tool change
G40 G0 X3.
M30
%
