%
O1 (two teeth, and a feed per tooth of just the runout: the short tooth cuts nothing)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F48. ; expect runout-exceeds-feed warning @1: runout 0.8 µm && a feed per tooth above 0.8 µm, or a tool clamped to less runout && tool 3, 2 flutes: feed per tooth 48 mm/min / (30000 rpm × 2) = 0.8 µm && engagement: largest sine 1 && runout from tools.3.runout
G0 Z1.
M5
M30
%
