// SPDX-License-Identifier: GPL-3.0-or-later
// The window and the stack of screens in it.
import QtQuick
import QtQuick.Controls.Basic
import Hingepin

ApplicationWindow {
    id: window
    width: 412
    height: 915
    minimumWidth: 320
    minimumHeight: 320
    visible: true
    title: "Hingepin"
    color: Theme.ground
    LayoutMirroring.enabled: App.rightToLeft
    LayoutMirroring.childrenInherit: true

    Component.onCompleted: App.begin()
    onClosing: close => {
        if (stack.depth > 1) {
            close.accepted = false;
            stack.goBack();
        }
    }

    function open(page: string, properties: var) {
        stack.push(Qt.resolvedUrl(page + ".qml"), properties ?? {}, StackView.Immediate);
    }

    StackView {
        id: stack
        objectName: "stack"
        anchors.fill: parent
        focus: true
        LayoutMirroring.enabled: App.rightToLeft
        LayoutMirroring.childrenInherit: true
        function goBack() {
            if (depth > 1)
                pop(StackView.Immediate);
        }
        function start(page: string) {
            clear(StackView.Immediate);
            window.open(page, {});
        }
    }
    Connections {
        target: stack.currentItem
        ignoreUnknownSignals: true
        function onBack() {
            stack.goBack();
        }
        function onOpen(page, properties) {
            window.open(page, properties);
        }
        function onReplace(page, properties) {
            stack.replace(Qt.resolvedUrl(page + ".qml"), properties ?? {}, StackView.Immediate);
        }
        function onHome() {
            stack.pop(null, StackView.Immediate);
        }
    }
    Connections {
        target: App
        function onStateChanged() {
            switch (App.state) {
            case App.FirstStart:
                stack.start("FirstStartPage");
                break;
            case App.Joining:
                stack.start("JoiningPage");
                break;
            case App.Locked:
                stack.start("UnlockPage");
                break;
            case App.Open:
                stack.start("HomePage");
                break;
            case App.KeysLost:
                stack.start("KeysLostPage");
                break;
            case App.Broken:
                stack.start("BrokenPage");
                break;
            }
        }
    }
    Flash {}
    Rectangle {
        // What went wrong outside a job, until it is pressed away.
        visible: App.problem.length > 0 && App.state !== App.Broken
        anchors.bottom: parent.bottom
        width: parent.width
        height: problem.implicitHeight + 2 * Theme.gap
        color: Theme.surface
        border.color: Theme.bad
        border.width: 2
        Press {
            id: problem
            anchors.centerIn: parent
            width: parent.width - 2 * Theme.gap
            kind: "bad"
            hold_ms: 0
            text: App.problem
            note: qsTr("Press to close this message")
            onPressedFully: App.clearProblem()
        }
    }
}
