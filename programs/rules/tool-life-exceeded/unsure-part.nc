%
O1 (what is cut under another offset may use up the life)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z0.
G1 Z-0.02 F30.
X0. F100.
G0 Z1.
G55
X0. Y0.
G1 X1. F100. ; not checked tool-life-exceeded: whether a move cuts is not known: position not known
X2.
G0 Z1.
M5
M30 ; not checked tool-life-exceeded: of a part of its moves it is not known whether tool 3 cuts
%
