%
O1 (an arc stood last before G80, then G80 beside axis words)
G21 G17 G40 G49 G80 G90 G94
G54
G0 X5. Y0. Z1.
G2 X6. I0.5 J0. F100.
G80
X7. ; expect codes-conflict warning @1: no motion code since G80 in line 7 && G0 or G1 in this block && no G0 or G1 stood last before it: the axes are unknown
G0 X0.
G80 X1. ; expect codes-conflict error: G80 and axis words in one block
M30
%
