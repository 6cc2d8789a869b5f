%
O1 (the same, the lower level by a fine cut)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
S50000 M3
M72
G0 X-3. Y-0.3 Z1.
Z-0.1
G1 X3. F400.
Y0.
X-3.
Y0.3
X3.
G0 Z1.
G4 P15.
X-1. Y0.
Z0.1
G1 Z-0.128 F60.
X1. F170.
G1 Z-0.13 F60.
X-1. F170. ; expect growth-exceeds-share error: spindle growth makes the step of 30 µm at least 0.3495 µm higher, allowed 0.33 µm && upper level: growth 2.207 µm to 2.356 µm at line 13 (737.504 s) && lower level: growth 2.564 µm to 2.705 µm at line 25 (756.96 s) && allowed is limits.growth_share 0.33 of ±1 µm (job.tolerance) && 0.5 min more of warm-up at 50000 rpm; or a warm-up of 12 min at the working speed of 50000 rpm; or measuring tool 3 again before line 25
G0 Z1.
M5
M30
%
