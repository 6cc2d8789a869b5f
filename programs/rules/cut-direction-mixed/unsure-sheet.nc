%
O1 (no features on the sheet)
G21 G90 G17 G94 ; not checked cut-direction-mixed: job.features is not on the sheet
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.1
G1 X3. F100.
G0 Z1.
M5
M30
%
