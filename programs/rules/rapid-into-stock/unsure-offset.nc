%
O1 (the stock is given under another offset)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G55
G0 X0. Y0. Z1.
Z-0.1 ; not checked rapid-into-stock: the stock is given under G54, the rapid runs under G55
G0 Z1.
M5
M30
%
