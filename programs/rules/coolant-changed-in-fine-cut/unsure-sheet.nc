%
O1 (no features on the sheet)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71
S20000 M3
M72
G0 X-3. Y0. Z1.
M8
Z-0.02
G1 X3. F60. ; not checked coolant-changed-in-fine-cut: job.features is not on the sheet
G0 Z1.
M5
M30
%
