%
O1 (70 blocks of half the time; at 67 block times for 70 of them nothing waits: 450 x 0.2 x 70 over 0.4 x 67 mm per min)
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
X0.0105 ; expect blocks-starve warning: the control cannot keep up behind 64 of 70 feed blocks: it can hold 225 mm/min on the shortest of them, programmed 450 mm/min && shortest block 1.5 µm / 0.4 ms a block (machine.control.block_time) && the look-ahead of 3 blocks (machine.control.look_ahead) is used up; in sum the tool waits 12.8 ms for blocks && longer blocks, or a feed of 235 mm/min
X0.012
X0.0135
X0.015
X0.0165
X0.018
X0.0195
X0.021
X0.0225
X0.024
X0.0255
X0.027
X0.0285
X0.03
X0.0315
X0.033
X0.0345
X0.036
X0.0375
X0.039
X0.0405
X0.042
X0.0435
X0.045
X0.0465
X0.048
X0.0495
X0.051
X0.0525
X0.054
X0.0555
X0.057
X0.0585
X0.06
X0.0615
X0.063
X0.0645
X0.066
X0.0675
X0.069
X0.0705
X0.072
X0.0735
X0.075
X0.0765
X0.078
X0.0795
X0.081
X0.0825
X0.084
X0.0855
X0.087
X0.0885
X0.09
X0.0915
X0.093
X0.0945
X0.096
X0.0975
X0.099
X0.1005
X0.102
X0.1035
X0.105
G0 Z1.
M5
M30
%
