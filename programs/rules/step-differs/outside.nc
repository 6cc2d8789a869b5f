%
O1 (a terrace beside the only feature)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X0. F100.
Z-0.006
X3. ; not checked step-differs: a step of 2 µm belongs to no feature of job.features
G0 Z1.
M5
M30
%
