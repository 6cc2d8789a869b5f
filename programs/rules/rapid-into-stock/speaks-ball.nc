%
O1 (back beside the trough of a ball)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 Y0.05
X-3. ; expect rapid-into-stock error: a rapid goes 0.016 && first at X 2. && a higher Z for the way there, or G1 for the way in && the depth is that of the end of tool 5 below what stands there
G0 Z1.
M5
M30
%
