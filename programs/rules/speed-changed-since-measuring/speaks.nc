%
O1 (growth since measuring at another speed)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
M3
M72
S50000
G4 P16.
G0 X-3. Y0. Z1.
Z-0.005
G1 X3. Z-0.015 F400. ; expect speed-changed-since-measuring warning @1: measured at 20000 rpm at line 10 && at least 0.3342 µm longer since, allowed 0.33 µm && measuring tool 3 again at 50000 rpm before line 15 && measuring: growth 1.959 µm at line 10 (737.5 s) && now: growth 2.293 µm to 2.441 µm (755.004 s) && allowed is limits.growth_share 0.33 of ±1 µm (job.tolerance)
G0 Z1.
M5
M30
%
