%
O1 (one last digit less: the low end of the band holds, the typical value does not)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X3. F5.5 ; expect flex-exceeds-wall warning: allowed 3.3 µm
G0 Z1.
M5
M30
%
