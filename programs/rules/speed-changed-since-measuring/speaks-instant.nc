%
O1 (the bearings shift at once: 1 µm less 0.6698)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
S50000 M3
M72
S40920
G0 X-3. Y0. Z1.
Z-0.005
G1 X3. Z-0.015 F400. ; expect speed-changed-since-measuring warning @1: measured at 50000 rpm && measuring tool 3 again at 40920 rpm before line 14 && measuring: growth 1 µm at line 10 (737.5 s) && now: growth 0.67 µm to 0.67 µm (739.004 s) && allowed is limits.growth_share 0.33 of ±1 µm (job.tolerance)
G0 Z1.
M5
M30
%
