%
O1 (measured standing: the bearings shift at once)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
M72
S50000 M3
G0 X-3. Y0. Z1.
Z-0.005
G1 X3. Z-0.015 F400. ; expect speed-changed-since-measuring warning @1: measured standing at line 9 && measuring tool 3 again at 50000 rpm before line 13 && measuring: growth 1.883 µm at line 9 (736 s) && now: growth -0.08721 µm to 0.06855 µm (737.504 s) && allowed is limits.growth_share 0.33 of ±1 µm (job.tolerance)
G0 Z1.
M5
M30
%
