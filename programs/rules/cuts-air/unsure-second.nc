%
O1 (two moves under another offset: the first is named)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z1.
G55
X0. Y0. Z1.
G1 X1. F100. ; not checked cuts-air: the stock of G55 is not on the sheet
X4. ; not checked cuts-air: of a part of the moves it is not known whether they cut
G0 Z1.
M5
M30
%
