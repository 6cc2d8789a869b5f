%
O1 (the same program, but for the tool measured before the warm-up)
G21 G90 G17 G94
G54
T3 M6
S30000 M3
M72
M71
G0 G43 H3 Z1.
X-3. Y0.
Z-0.004
G1 X3. F100. ; expect budget-exceeds-tolerance error: step of 4 µm in pair may be off by && spindle growth halved gains 2.757 µm, repeatability halved gains 0.08393 µm, smallest step halved gains 0.06099 µm && spindle growth 5.513 µm, 91 % of it: from measuring at line 7 to line 12 && repeatability ±0.2828 µm, 3.3 % of it: 2 × 0.4 µm / 4 × √2 (two levels) && smallest step ±0.2449 µm, 2.5 % of it: 2 × 0.3 µm / 2 / √3 × √2 (two levels) && tool tilt and give 0.143 µm (0.08977 to 0.2213), 2.4 % of it: lower floor 0.143 µm too deep, upper level uncut && tool setting ±0.1 µm, 0.41 % of it: 2 × 0.1 µm / 2 (once, against the uncut top) && environment ±0.09758 µm, 0.39 % of it: 2 × 0.1 K / √2 × 11.5 µm/(m K) × 60 mm && growth in doubt ±0.001037 µm, 0.017 % of it: a move begins or ends at a place that is not known | expect tool-measured-cold error: no warm-up stands before line 7 | expect growth-exceeds-share error: step of 4 µm at least 5.512 µm higher, allowed 0.231 µm && 9.6 min more of warm-up at 30000 rpm ahead of measuring; or a warm-up of 12 min at the working speed of 30000 rpm; or measuring tool 3 again before line 12 && upper level uncut; measuring: growth 0.387 µm at line 7 (16 s) at 30000 rpm && lower level: growth 5.899 µm to 5.901 µm at line 12 (739.606 s) && allowed is limits.growth_share 0.33 of ±0.7 µm (job.features.pair.tolerance)
G0 Z1.
M5
M30
%
