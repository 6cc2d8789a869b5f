%
O1 (no stock on the sheet, but the floor of a slot is known)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z0.1
G1 Z-0.02 F30.
X3. F100.
G0 Z-0.05 ; expect rapid-into-stock error: a rapid goes 0.03 mm into stock, first at X 3 mm, Y 0 mm, Z -0.02 mm && a higher Z for the way there, or G1 for the way in && the depth is that of the end of tool 3 below what stands there | not checked rapid-into-stock: stock.top is not on the sheet
G0 Z1.
M5
M30
%
