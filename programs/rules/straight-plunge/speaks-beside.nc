%
O1 (half over a hole)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z0.1
G99 G81 Z-0.3 R0.1 F30.
G80
G0 X0.2
G1 Z-0.3 ; expect straight-plunge warning: a plunge of 300 µm into stock, a tenth of the diameter is 40 µm && tool 3 of 0.4 mm is a fine tool (job.fine_tool 1 mm)
G0 Z1.
M5
M30
%
