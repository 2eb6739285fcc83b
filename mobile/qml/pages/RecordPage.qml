// SPDX-License-Identifier: GPL-3.0-or-later
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    property string record: ""
    title: qsTr("Record")
}
