// SPDX-License-Identifier: GPL-3.0-or-later
// The ground of every chart: axes with round numbers, written as the language writes them, in the look of the app.
import QtCharts
import QtQuick
import QtQuick.Layouts
import Hingepin

ChartView {
    id: plot
    property alias xAxis: horizontal
    property alias yAxis: vertical
    property var xLabel: value => App.number(value, 0)
    property double lastLabel_em: 1
    /// What it shows, for who can't see it.
    property string words: ""
    readonly property int thin: Theme.isSunlight ? 3 : 2
    readonly property int thick: Theme.isSunlight ? 5 : 3
    readonly property int fontSize: Math.min(Theme.smallText, 22)
    Layout.fillWidth: true
    implicitHeight: 170 + 5 * fontSize
    antialiasing: true
    legend.visible: false
    localizeNumbers: false
    backgroundColor: Theme.surface
    plotAreaColor: "transparent"
    backgroundRoundness: Theme.radius
    dropShadowEnabled: false
    margins.top: 2
    margins.bottom: 2
    margins.left: 2
    // The last label stands half beyond the end of its axis.
    margins.right: Math.round(fontSize * lastLabel_em)
    Accessible.role: Accessible.Graphic
    Accessible.name: words

    function passName(pass: var): string {
        return pass.lowering ? (pass.pace === "slow" ? qsTr("Slow, lowering") : qsTr("Fast, lowering")) : (pass.pace === "slow" ? qsTr("Slow, raising") : qsTr("Fast, raising"));
    }
    function roundStep(range: double, most: int): double {
        const power = Math.pow(10, Math.floor(Math.log10(range / most)));
        return [1, 2, 5, 10].map(factor => factor * power).find(step => step * most >= range * 0.999);
    }
    function mark(axis: var, values: var, label: var) {
        while (axis.count > 0)
            axis.remove(axis.categoriesLabels[0]);
        axis.startValue = values[0];
        for (const value of values)
            axis.append(label(value), value);
        axis.min = values[0];
        axis.max = values[values.length - 1];
    }
    function rounded(low: double, high: double, most: int): var {
        const step = roundStep(high > low ? high - low : 1, most);
        const first = Math.floor(low / step + 0.001);
        const last = Math.max(first + 1, Math.ceil(high / step - 0.001));
        const values = [];
        for (let index = first; index <= last; ++index)
            values.push(index * step);
        return values;
    }
    /// Shows at least that much of both axes.
    function showX(left: double, right: double) {
        mark(horizontal, rounded(left, right, Math.max(2, Math.floor(width / (fontSize * 5)))), xLabel);
    }
    function showY(low: double, high: double) {
        const values = rounded(low, high, 5);
        const decimals = Math.max(0, Math.ceil(-Math.log10(values[1] - values[0]) - 0.001));
        mark(vertical, values, value => App.number(value, decimals));
    }
    CategoryAxis {
        id: horizontal
        labelsPosition: CategoryAxis.AxisLabelsPositionOnValue
        labelsColor: Theme.ink
        labelsFont.pixelSize: plot.fontSize
        gridLineColor: Theme.line
        color: Theme.line
    }
    CategoryAxis {
        id: vertical
        labelsPosition: CategoryAxis.AxisLabelsPositionOnValue
        labelsColor: Theme.ink
        labelsFont.pixelSize: plot.fontSize
        gridLineColor: Theme.line
        color: Theme.line
    }
}
