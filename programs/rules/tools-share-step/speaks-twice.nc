%
O1 (two steps; on the smaller one it weighs more)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F100.
G0 Z1.
T4 M6
G43 H4
S30000 M3
G0 X-3. Y0.2 Z1.
Z-0.03
G1 X3. ; expect tools-share-step warning x2: step 10 µm: upper level by tool 3, lower level by tool 4 && the setting of both tools enters the step, √2 times that of one && both levels by one tool
G0 Z1.
X-3. Y-0.3
Z-0.025
G1 X3.
G0 Z1.
M5
M30
%
