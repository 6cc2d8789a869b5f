%
O1 (of the tool of the lower floor the cutting length is not known)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-1. Z1.
Z-0.004
G1 X3. F200.
G0 Y-0.7
G1 X-3.
G0 Y-0.4
G1 X3.
G0 Y-0.1
G1 X-3.
G0 Y0.2
G1 X3.
G0 Y0.5
G1 X-3.
G0 Y0.8
G1 X3.
G0 Y1.1
G1 X-3.
G0 Z1.
T4 M6
G43 H4
S30000 M3
G0 X-3. Y0.
Z-0.008
G1 X3. F20. ; expect tools-share-step warning: upper level by tool 3 | not checked flex-exceeds-step: the force on the level at -0.008 mm is not known
G0 Z1.
M5
M30
%
