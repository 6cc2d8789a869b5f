%
O1 (a plunge just deeper than a tenth of the diameter)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
Z0.1
G1 Z-0.0401 F30. ; expect straight-plunge warning: a plunge of 40.1 µm into stock, a tenth of the diameter is 40 µm && tool 3 of 0.4 mm is a fine tool (job.fine_tool 1 mm)
X1. F100.
G0 Z1.
M5
M30
%
