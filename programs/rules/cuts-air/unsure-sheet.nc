%
O1 (no stock on the sheet)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z1.
G1 X4. F100. ; not checked cuts-air: stock.top is not on the sheet
G0 Z1.
M5
M30
%
