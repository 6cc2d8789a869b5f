%
O1 (the upper level is uncut: growth since measuring counts)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
S50000 M3
M72
G4 P15.2
G0 X-3. Y-0.3 Z1.
Z-0.008
G1 X3. F400. ; expect growth-exceeds-share error @1: step of 8 µm at least 0.3312 µm higher, allowed 0.33 µm && 2.2 min more of warm-up at 50000 rpm ahead of measuring; or a warm-up of 12 min at the working speed of 50000 rpm; or measuring tool 3 again before line 14 && upper level uncut; measuring: growth 2.207 µm at line 10 (737.5 s) at 50000 rpm && lower level: growth 2.538 µm to 2.68 µm at line 18 (755.494 s) && allowed is limits.growth_share 0.33 of ±1 µm (job.tolerance)
Y0.
X-3.
Y0.3
X3.
G0 Z1.
X-1. Y0.
Z0.1
G1 Z-0.012 F60.
X1. F170.
G0 Z1.
M5
M30
%
