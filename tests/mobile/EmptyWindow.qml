// SPDX-License-Identifier: GPL-3.0-or-later
// What a window with a chart costs whoever draws one: the measure for the app's start.
import QtCharts
import QtQuick
import QtQuick.Controls.Basic

ApplicationWindow {
    width: 412
    height: 915
    visible: true
    ChartView {
        anchors.fill: parent
        antialiasing: true
        LineSeries {
            XYPoint {
                x: 0
                y: 0
            }
            XYPoint {
                x: 1
                y: 1
            }
        }
    }
}
