%
O1 (the narrower cut lets a tooth advance less)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F300.
Y0.02
X-3. F110.1 ; expect runout-exceeds-feed warning x2: runout 0.8 µm, largest advance of a tooth across its edge 0.7999 µm && tool 3, 2 flutes: feed per tooth 110.1 mm/min / (30000 rpm × 2) = 1.835 µm && engagement: largest sine 0.4359 && runout from tools.3.runout && a feed per tooth above 1.835 µm, or a tool clamped to less runout
Y0.03 F300.
X3. F110.1
G0 Z1.
M5
M30
%
