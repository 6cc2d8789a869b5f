%
O1 (each tool by the growth since its own measuring)
G21 G90 G17 G94
G54
S20000
M71
T4 M6
S50000 M3
M72
T3 M6
G43 H3
M3
M72
G0 X-3. Y-0.3 Z1.
Z-0.008
G1 X3. F400.
Y0.
X-3.
Y0.3
X3.
G0 Z1.
G4 P60.
T4 M6
G43 H4
M3
G0 X-1. Y0. Z1.
Z0.1
G1 Z-0.012 F60. ; expect tool-not-measured warning x2
X1. F400. ; expect tools-share-step warning: the setting of both tools enters the step, √2 times that of one | expect growth-exceeds-share error @1: measuring tool 4 again before line 29 && allowed 0.33 µm && upper level: growth 2.433 µm to 2.577 µm at line 16 (755.004 s); its measuring: growth 2.433 µm at line 13 (755 s) at 50000 rpm && measuring for the lower level: growth 2.207 µm at line 9 (737.5 s) at 50000 rpm && lower level: growth 3.475 µm to 3.713 µm at line 29 (823.714 s) && allowed is limits.growth_share 0.33 of ±1 µm (job.tolerance)
G0 Z1.
M5
M30
%
