<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es">
<context>
    <name>AttachmentEditPage</name>
    <message>
        <source>Number or name of the attachment</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Quick coupler, kg</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bucket, kg</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Load&apos;s centre along the bucket floor from the hinge pin, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Load&apos;s centre square to the floor, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heel along the floor, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Heel square to the floor, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cutting edge along the floor, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cutting edge square to the floor, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Upper stop: cutting edge above ground, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lower stop: cutting edge above ground, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New attachment</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is not known stays empty. Without masses and a load centre a known mass is needed to calibrate.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>AttachmentsPage</name>
    <message>
        <source>Attachments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add an attachment</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BeginPage</name>
    <message>
        <source>Begin a job on %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Must have been done before: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Have at hand: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Way</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fitted attachment</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>If nobody is here to confirm what a second person should</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wait for somebody</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A look from afar, by photo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go on, marked as unconfirmed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>(empty where the attachment says it)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rated payload</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wanted upper stop, cutting edge above ground</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Test mass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another procedure</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BrokenPage</name>
    <message>
        <source>The yard can&apos;t be opened</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was changed. Keep the folder as it is, and restore a backup beside it if you have one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Try again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open another yard</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>CameraView</name>
    <message>
        <source>Release the shutter</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>CautionStep</name>
    <message>
        <source>I have read this</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ComparePage</name>
    <message>
        <source>Check-out and return compared</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing differs that was read or answered.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The record of the check-out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The record of the return</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ConfirmStep</name>
    <message>
        <source>Yes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>I confirm it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No, it is not so</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nobody is here to confirm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The record will say so</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A second person looks for themself and confirms: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No such person has a key on this phone. Add one under People, or let them confirm on their own phone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Their passphrase</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>DoubtStep</name>
    <message>
        <source>I meant %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Type it again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The record will say that it was doubted and confirmed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: can that be?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Usual is between %1 and %2. Look for a slipped decimal mark or another unit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>EndStep</name>
    <message>
        <source>Seal the record</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the record</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Failed: do not use this scale</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Given up: do not use this scale</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sealed with your key. Nobody can change it without it showing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Record %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>EvidenceStep</name>
    <message>
        <source>Take a photo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Use a practice picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Invented, and marked so</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave it out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pictures (%1)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All files (%1)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>FeedPage</name>
    <message>
        <source>Live readings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Readings come as lines of a lift log (CSV): from a sensor gateway over the network, from a file that is played back, or from the simulated loader for practice.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Simulated loader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Invented; for practice units</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A file, played back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sensor gateway (TCP)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Address of the gateway, host:port</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 readings a second</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>FirstStartPage</name>
    <message>
        <source>Calibrates the scale and the automatic stops of a wheel loader, step by step, with no signal needed, and keeps a signed record.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The law and the rules of the site, the machine maker&apos;s manual and licensed practice come first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Language</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Making the demo yard: %1 %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Make my yard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Your key and the yard&apos;s list of who may sign</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look round the demo yard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Invented machines, people and records, to practise on</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Flash</name>
    <message>
        <source>Once more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pass complete</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Held</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Frame</name>
    <message>
        <source>Back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Working</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>HistoryChart</name>
    <message>
        <source>Error of the proofs, %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Last proof %1: error %2 %</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>HoldStep</name>
    <message>
        <source>It was disturbed: begin again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n second(s)</source>
        <translation type="unfinished">
            <numerusform></numerusform>
            <numerusform></numerusform>
        </translation>
    </message>
</context>
<context>
    <name>HomePage</name>
    <message>
        <source>Demo yard (invented)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) must not be used</source>
        <translation type="unfinished">
            <numerusform></numerusform>
            <numerusform></numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unit(s) due now or soon</source>
        <translation type="unfinished">
            <numerusform></numerusform>
            <numerusform></numerusform>
        </translation>
    </message>
    <message>
        <source>Waiting for a second person</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, since %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Confirmed lately</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Out on hire</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No unit is out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>since %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go on with</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Units</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No unit yet. Add the first one below.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>locked out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settings</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>JobMorePage</name>
    <message>
        <source>This job</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go on later</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is lost; it opens again at this step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give the job up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The job then ends as given up: the machine is made safe, and its scale is tagged not to be used.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hold to give up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep on working</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done so far, the newest first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>(does not count)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>JobPage</name>
    <message>
        <source>%1 with %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>practice, invented</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Step %1 of %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The job has stopped. Make the machine safe first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not passed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It was: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do this now:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do the last step again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was said stays on the record and no longer counts</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All that was done so far, giving up, going on later</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Keypad</name>
    <message>
        <source>Delete the last digit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Plus or minus</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Decimal mark</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LevelPage</name>
    <message>
        <source>The phone as a level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A raised boom can come down.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whoever is under it is crushed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure on a raised boom only with the engine off, the key removed, the boom support fitted, and nobody under it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This phone has no accelerometer. Use an inclinometer and type what it shows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slope along the phone&apos;s long side, as it lay first:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>2. Turn the phone half round on the same spot, its top where its foot was. Hands off, then measure again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1. Lay the phone flat on the bucket floor, the boom or the ground, its long side along the machine. Hands off, then measure.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measuring: keep your hands off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin again</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LiveBar</name>
    <message>
        <source>No readings are coming. They are waited for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom rising</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom lowering</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Standing still</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom %1°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wanted %1°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 % done</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MachineView</name>
    <message>
        <source>Side view of the loader, boom at %1 degrees</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Side view of the loader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 degrees wanted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>plausible, not its own pins</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Main</name>
    <message>
        <source>Press to close this message</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MakeYardPage</name>
    <message>
        <source>Make my yard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Your name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>You are mostly</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Passphrase: 12 characters or more, a few words are best</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same passphrase again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This is not the same.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It locks your signing key and the yard&apos;s key on this phone. Nobody can recover it: write it down and keep it where the office keeps its keys. Others can be added later, each with a key of their own.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Make the keys and the yard</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MonitorStep</name>
    <message>
        <source>In the monitor&apos;s own words, if you like</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MoveStep</name>
    <message>
        <source>Move the practice loader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It does what the step asks; on a real machine your hands are on the levers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The pass is done</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It stands there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It did not work</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom at its lowest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom at its highest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom at carry height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom down, on the ground</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bucket racked back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bucket level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bucket dumped</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>come from below</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>come from above</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Raise</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lower</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>slowly</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fast</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at your own pace</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bucket empty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>with the test mass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This pass needs a log: open live readings, or bring the log as a file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring the log as a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Practise with the simulated loader</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lift logs (%1)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>NoteStep</name>
    <message>
        <source>Write it down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In your own words</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>PeoplePage</name>
    <message>
        <source>People</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>May not sign any more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Key %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Their name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A passphrase of their own, 12 characters or more</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The yard&apos;s passphrase</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add this person</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a person</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ReadingStep</name>
    <message>
        <source>Take the live value: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>steady</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not steady yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter %1 %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Typed: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Between %1 and %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At least %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At most %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Last time: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Practice: the instrument shows %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unit %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RecordPage</name>
    <message>
        <source>Record</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hand over</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save as a PDF</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the sealed record itself</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Any program that knows JSON Web Signatures can check it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the tag as a PDF</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sign it too</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A further signature, with your own key</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Correct it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By a new record that names this one; this one stays as it is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was wrong, and what is right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seal the correction</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ResumeStep</name>
    <message>
        <source>Go on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the job over as %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The job was interrupted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Everything that was done is kept. Before you go on: is the machine as you left it, and is nobody near it? Cautions that still hold are shown again, and &quot;the zone is clear&quot; is asked for again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Somebody else was in charge of it.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SettingsPage</name>
    <message>
        <source>Settings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Day</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sunlight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Black on white, thick lines</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Text size</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gloves: larger keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wet glass: hold a key for it to count</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sounds and vibration</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Speak the instructions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Speak the instructions (this phone has no voice in this language)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Units</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Metric: kg, bar, °C, m</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>US: lb, psi, °F, in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Language</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This translation was made by a machine. A native speaker who knows the trade has still to review it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>You act as</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>People who may sign on this phone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Live readings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The phone as a level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lock</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The next person opens it with their own key</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hingepin %1. The app is free software under the GNU General Public License, version 3 or later; its engine under the Apache License 2.0. It never writes to a machine. A verdict here does not make a scale legal for trade; that needs the authority in charge.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SignStep</name>
    <message>
        <source>Sign</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clear the glass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not here to sign</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Does not want to sign</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>You sign as %1, %2, with your key on this phone.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SignaturePad</name>
    <message>
        <source>Sign here with a finger</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>StateMark</name>
    <message>
        <source>ready</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>due soon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>due</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>restricted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>do not use</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not calibrated</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>TagStep</name>
    <message>
        <source>Save the tag as a PDF</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The tag hangs on the machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>UnitEditPage</name>
    <message>
        <source>The machine&apos;s own routine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Readings typed from its monitor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Logs or a live feed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Edit %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Number or name of the unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rated payload, kg</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lift cylinders, how many</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lift cylinder bore, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lift cylinder rod, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Weigh window from boom angle, degrees (if known)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Weigh window to boom angle, degrees (if known)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Oil at least, °C, before pressures are taught (if the manual says)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Test mass of the yard, kg (if there is one)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Due again after, hours (if the yard says)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It can be taught by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Its monitor shows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Press the unit in which it shows it; press it again if it does not show it at all. Mind which ton it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For practice: an invented machine</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Its records say so; the simulated loader may stand in for it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Linkage</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Its pins are on file: empty passes are enough to calibrate.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Its pins are not known. It can be calibrated with a known mass all the same.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read the pins from a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unit or job files (%1)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>UnitPage</name>
    <message>
        <source>With %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Due again %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save its label as a PDF</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin a job</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Edit the unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Attachments</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Compare check-out and return</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Records</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not trusted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>corrected</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>UnlockPage</name>
    <message>
        <source>Demo yard: who are you?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Who is at the phone?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Passphrase</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another yard</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>WaitStep</name>
    <message>
        <source>Compute again</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ZoneStep</name>
    <message>
        <source>Hold: the zone is clear</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The machine moves next. Nobody near it, nobody under the boom, everybody in sight.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>hingepin::mobile</name>
    <message>
        <source>read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>zone clear</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>gone back to do it again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>yes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>done</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>did not work</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>photo or file kept</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>left out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>signed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not there to sign</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>refused to sign</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nobody there to confirm</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::App</name>
    <message>
        <source>Technician</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Operator</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Supervisor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Safety lead</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Yard checker</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Customer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>DANGER</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>WARNING</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>CAUTION</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>NOTICE</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Level</name>
    <message>
        <source>%1 ± %2</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Live</name>
    <message>
        <source>%1 can&apos;t be opened: %2</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Photos</name>
    <message>
        <source>Practice picture, invented</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>hingepin::mobile::Profiles</name>
    <message>
        <source>This file holds no linkage. A unit&apos;s profile, a calibration job, or the linkage alone is needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mass on the scale</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom angle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Boom sensor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bucket sensor</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lift pressure, head side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lift pressure, rod side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Oil temperature</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Operating hours</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fuel level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>counts</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
