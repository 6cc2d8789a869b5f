%
O1 (two feeds: all of them by the same part)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
G1 X0.0015 F450.
X0.003
X0.0045
X0.006
X0.0075
X0.009
X0.01 F300. ; expect blocks-starve warning: the control cannot keep up behind 1 of 7 feed blocks: it can hold 150 mm/min on the shortest of them, programmed 300 mm/min && shortest block 1 µm / 0.4 ms a block (machine.control.block_time) && the look-ahead of 3 blocks (machine.control.look_ahead) is used up; in sum the tool waits 0.2 ms for blocks && longer blocks, or all feeds of the operation times 0.875
G0 Z1.
M5
M30
%
