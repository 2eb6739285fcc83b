// SPDX-License-Identifier: GPL-3.0-or-later
// By what proofs are judged: tolerance and decision rule, of the yard or of one unit.
import QtQuick
import QtQuick.Layouts
import Hingepin

Page {
    id: page
    property string unit: ""
    property string scheme: ""
    property string of: "reference"
    property string accuracyClass: ""
    property string stage: "in-service"
    property string rule: ""
    property var steps: []
    readonly property var stored: Profiles.terms
    readonly property string symbol: stored.massSymbol ?? "kg"
    readonly property bool isByClass: scheme === "oiml-r76" || scheme === "oiml-r51" || scheme === "nist-hb44"
    readonly property bool isNist: scheme === "nist-hb44"
    readonly property string tolerance: "/proof/tolerance/"
    readonly property var classes: Profiles.classesOf(scheme)
    readonly property var fields: [limit, interval, confidence]
    readonly property bool isPlaced: fields.some(field => field.visible && field.problem.length > 0) || classProblem.visible || page.steps.some((step, index) => page.problemOf("steps/" + index).length > 0)
    title: unit.length > 0 ? qsTr("How proofs of %1 are judged").arg(unit) : qsTr("How proofs are judged in this yard")
    Component.onCompleted: Profiles.openTerms(unit)

    function problemOf(place: string): string {
        const at = Profiles.problemAt;
        return at === tolerance + place || at.startsWith(tolerance + place + "/") ? Profiles.problem : "";
    }
    function stageOf(newScheme: string): string {
        return newScheme === "nist-hb44" ? "maintenance" : "in-service";
    }
    function choose(newScheme: string) {
        scheme = newScheme;
        accuracyClass = "";
        stage = stageOf(newScheme);
        if (newScheme === "steps" && steps.length === 0)
            addStep();
    }
    function addStep() {
        steps = steps.concat([
            {
                upTo: "",
                limit: ""
            }
        ]);
    }
    function setStep(index: int, key: string, text: string) {
        steps[index][key] = text;
    }
    function fill() {
        const form = stored;
        scheme = form.scheme ?? "";
        of = form.of ?? "reference";
        accuracyClass = form.accuracyClass ?? "";
        stage = (form.stage ?? "").length > 0 ? form.stage : stageOf(scheme);
        rule = form.rule ?? "";
        limit.text = form.limit ?? "";
        interval.text = form.interval ?? "";
        confidence.text = (form.confidence ?? "").length > 0 ? form.confidence : "95";
        steps = (form.steps ?? []).map(step => ({
                    upTo: step.upTo,
                    limit: step.limit
                }));
    }

    Connections {
        target: Profiles
        function onTermsChanged() {
            page.fill();
        }
        function onSaved(id) {
            page.back();
        }
    }
    BodyText {
        Layout.fillWidth: true
        text: page.unit.length > 0 ? qsTr("Jobs that begin from now on are judged by it. What is left open here the yard says.") : qsTr("Jobs that begin from now on are judged by it, unless the unit itself says otherwise.")
    }
    Choice {
        label: qsTr("Tolerance")
        options: [
            {
                value: "",
                text: page.unit.length > 0 ? qsTr("As the yard says") : qsTr("As each procedure says")
            },
            {
                value: "percent",
                text: qsTr("A percentage of the load")
            },
            {
                value: "oiml-r76",
                text: qsTr("A class of OIML R 76"),
                note: qsTr("Scales that weigh at rest")
            },
            {
                value: "oiml-r51",
                text: qsTr("A class of OIML R 51, category Y"),
                note: qsTr("Scales that weigh each load by themselves")
            },
            {
                value: "nist-hb44",
                text: qsTr("A class of NIST Handbook 44, 2.20"),
                note: qsTr("Scales in the United States")
            },
            {
                value: "steps",
                text: qsTr("Steps of our own")
            }
        ]
        value: page.scheme
        onChosen: value => page.choose(value)
    }
    Field {
        id: limit
        visible: page.scheme === "percent"
        label: qsTr("Largest error, up or down, %")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
        problem: page.problemOf("limit")
    }
    Choice {
        visible: page.scheme === "percent"
        label: qsTr("Per cent of")
        options: [
            {
                value: "reference",
                text: qsTr("The mass that is lifted")
            },
            {
                value: "rated",
                text: qsTr("The rated payload")
            }
        ]
        value: page.of
        onChosen: value => page.of = value
    }
    Choice {
        visible: page.isByClass
        label: qsTr("Class")
        options: page.classes.map(name => ({
                    value: name,
                    text: name
                }))
        value: page.accuracyClass
        onChosen: value => page.accuracyClass = value
    }
    BodyText {
        id: classProblem
        visible: page.isByClass && text.length > 0
        Layout.fillWidth: true
        color: Theme.bad
        font.pixelSize: Theme.smallText
        text: page.problemOf("class")
    }
    Field {
        id: interval
        visible: page.isByClass
        label: page.isNist ? qsTr("Scale division d, %1").arg(page.symbol) : qsTr("Verification interval e, %1").arg(page.symbol)
        inputMethodHints: Qt.ImhFormattedNumbersOnly
        problem: page.problemOf("interval")
    }
    Choice {
        visible: page.isByClass
        label: qsTr("Which limits")
        options: page.isNist ? [
            {
                value: "acceptance",
                text: qsTr("Acceptance: new or just repaired")
            },
            {
                value: "maintenance",
                text: qsTr("Maintenance: in use")
            }
        ] : [
            {
                value: "initial",
                text: qsTr("Initial: new or just repaired")
            },
            {
                value: "in-service",
                text: qsTr("In service")
            }
        ]
        value: page.stage
        onChosen: value => page.stage = value
    }
    Repeater {
        model: page.scheme === "steps" ? page.steps : []
        Card {
            id: step
            required property var modelData
            required property int index
            Layout.fillWidth: true
            Field {
                label: qsTr("Loads up to, %1").arg(page.symbol)
                inputMethodHints: Qt.ImhFormattedNumbersOnly
                problem: page.problemOf("steps/" + step.index + "/up_to")
                Component.onCompleted: text = step.modelData.upTo
                onTextChanged: page.setStep(step.index, "upTo", text)
            }
            Field {
                label: qsTr("Largest error there, %1").arg(page.symbol)
                inputMethodHints: Qt.ImhFormattedNumbersOnly
                problem: page.problemOf("steps/" + step.index + "/limit")
                Component.onCompleted: text = step.modelData.limit
                onTextChanged: page.setStep(step.index, "limit", text)
            }
            BodyText {
                visible: Profiles.problemAt === page.tolerance + "steps/" + step.index
                Layout.fillWidth: true
                color: Theme.bad
                font.pixelSize: Theme.smallText
                text: Profiles.problem
            }
            Press {
                Layout.fillWidth: true
                visible: page.steps.length > 1
                text: qsTr("Remove this step")
                onPressedFully: page.steps = page.steps.filter((each, index) => index !== step.index)
            }
        }
    }
    Press {
        visible: page.scheme === "steps"
        Layout.fillWidth: true
        text: qsTr("One more step")
        onPressedFully: page.addStep()
    }
    Choice {
        label: qsTr("When is it passed?")
        options: [
            {
                value: "",
                text: page.unit.length > 0 ? qsTr("As the yard says") : qsTr("As each procedure says")
            },
            {
                value: "simple",
                text: qsTr("When its error is within the limit"),
                note: qsTr("Near the limit a wrong verdict is about as likely as a right one")
            },
            {
                value: "guarded",
                text: qsTr("When it is plain that its error is within the limit"),
                note: qsTr("The doubt of the proof counts against the scale")
            }
        ]
        value: page.rule
        onChosen: value => page.rule = value
    }
    Field {
        id: confidence
        visible: page.rule === "guarded"
        label: qsTr("How sure, %")
        inputMethodHints: Qt.ImhFormattedNumbersOnly
        problem: Profiles.problemAt === "/proof/decision/confidence" ? Profiles.problem : ""
    }
    BodyText {
        Layout.fillWidth: true
        color: Theme.faintInk
        font.pixelSize: Theme.smallText
        text: qsTr("A verdict by any of these does not make a scale legal for trade. That needs the authority in charge.")
    }
    BodyText {
        visible: text.length > 0
        Layout.fillWidth: true
        color: Theme.bad
        text: Profiles.problem.length > 0 ? "✖ " + (page.isPlaced ? qsTr("Nothing was saved: see above.") : Profiles.problem) : ""
    }
    actions: [
        Press {
            Layout.fillWidth: true
            kind: "main"
            text: qsTr("Save")
            enabled: !App.busy
            onPressedFully: Profiles.saveTerms(page.unit, {
                scheme: page.scheme,
                limit: limit.text,
                of: page.of,
                accuracyClass: page.accuracyClass,
                interval: interval.text,
                stage: page.stage,
                steps: page.steps,
                mass: page.stored.mass ?? "kg",
                rule: page.rule,
                confidence: confidence.text
            })
        }
    ]
}
