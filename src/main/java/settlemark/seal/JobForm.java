package settlemark.seal;

import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;
import settlemark.job.Act;
import settlemark.job.InstrumentCard;
import settlemark.job.JobPlan;
import settlemark.job.Limit;
import settlemark.job.PlanStep;
import settlemark.job.RatingPlate;
import settlemark.job.StagePlate;
import settlemark.measure.Role;
import settlemark.session.Attachment;
import settlemark.session.Note;
import settlemark.session.ProbeSetup;
import settlemark.session.SessionEvent;
import settlemark.session.SessionHeader;
import settlemark.settle.ChannelReading;
import settlemark.settle.FromInstrument;
import settlemark.settle.SettleAdjustment;
import settlemark.settle.SettleChoices;
import settlemark.settle.StageReading;

/**
 * The canonical form of a session's parts, form 1. What is written here and in which order must never change: old seals
 * are checked by it. What is added later to a plan or an act gets a form of its own.
 */
final class JobForm {
    private final Canon canon = new Canon();

    byte[] header(SessionHeader header) {
        canon.add(header.key()).add(header.title());
        canon.add(header.startedAt().getEpochSecond())
                .add((long) header.startedAt().getNano());
        canon.add(header.zone().getId());
        canon.add(header.pressureUnit().code()).add(header.temperatureUnit().code());
        canon.each(header.probes(), this::probe);
        canon.add(header.plan().isPresent());
        header.plan().ifPresent(this::plan);
        header.plate().ifPresent(this::plate);
        canon.add(header.version());
        settled(header);
        return canon.digest();
    }

    /** Added after the form was fixed, so it is written only where there is something of it. */
    private void settled(SessionHeader header) {
        if (!header.settle().isNone()) {
            canon.add("settle");
            choices(header.settle());
        }
        header.plan().ifPresent(plan -> {
            if (!plan.settle().isNone()) {
                canon.add("plan-settle");
                choices(plan.settle());
            }
            for (PlanStep step : plan.steps()) {
                step.settledBy()
                        .rule()
                        .ifPresent(rule -> canon.add("settled-by")
                                .add(step.key())
                                .add(rule.key())
                                .add(step.settledBy().alone()));
                if (step.pressuresFirst()) {
                    canon.add("pressures-first").add(step.key());
                }
            }
        });
    }

    private void choices(SettleChoices choices) {
        canon.each(choices.adjustments().entrySet(), e -> {
            SettleAdjustment set = e.getValue();
            canon.add(e.getKey().name());
            canon.add(set.driftLimit()).add(set.band()).add(set.horizonSeconds());
            canon.each(set.windowSeconds(), canon::add);
            canon.add(set.dwellSeconds()).add(set.huntingSeconds());
        });
    }

    private void probe(ProbeSetup probe) {
        canon.add(probe.name()).add(probe.address().toString());
        canon.add(probe.profile().digest());
        Map<String, Role> sorted = new TreeMap<>(probe.roles());
        canon.each(
                sorted.entrySet(), e -> canon.add(e.getKey()).add(e.getValue().name()));
        canon.add(probe.identity());
    }

    private void plan(JobPlan plan) {
        canon.add(plan.key()).add(plan.title());
        canon.each(plan.fuels(), f -> canon.add(f.name()));
        canon.each(plan.stages(), canon::add);
        canon.each(plan.steps(), this::step);
    }

    private void step(PlanStep step) {
        canon.add(step.key()).add(step.kind().name()).add(step.stage());
        canon.add(step.group()).add(step.name()).add(step.title());
        canon.add(step.instruction()).add(step.caution()).add(step.press());
        canon.each(step.required(), r -> canon.add(r.name()));
        canon.each(step.ticks(), canon::add);
        canon.add(step.watch().settleSeconds()).add(step.watch().holdSeconds());
        canon.each(step.limits(), l -> {
            canon.add(l.subject());
            limit(l.limit());
        });
    }

    private void plate(RatingPlate plate) {
        canon.add(plate.appliance()).add(plate.fuel().name());
        canon.each(plate.stages(), this::stage);
        limit(plate.inlet());
        limit(plate.rise());
        if (!plate.statics().isOpen()) {
            canon.add("statics");
            limit(plate.statics());
        }
        if (!plate.control().isOpen()) {
            canon.add("control");
            limit(plate.control());
        }
        if (plate.site().known()) {
            canon.add("site").add(plate.site().altitudeFeet());
            canon.add(plate.site().derating().name()).add(plate.site().factor());
        }
    }

    private void stage(StagePlate stage) {
        canon.add(stage.key()).add(stage.name());
        canon.add(stage.manifoldTarget()).add(stage.manifoldTolerance());
        canon.add(stage.unit().code()).add(stage.inputBtuPerHour());
    }

    private void limit(Limit limit) {
        canon.add(limit.lower()).add(limit.upper());
        canon.add(limit.unit().code()).add(limit.source());
    }

    /** An event that is not bytes. */
    byte[] event(SessionEvent event) {
        canon.add(event.timeNanos());
        if (event instanceof SessionEvent.Link link) {
            canon.add("link").add((long) link.probe()).add(link.change().name()).add(link.words());
        } else if (event instanceof SessionEvent.Clock clock) {
            canon.add("clock").add(clock.slept()).add(clock.amountNanos()).add(clock.words());
        } else if (event instanceof SessionEvent.Done done) {
            act(done.act());
        } else {
            throw new IllegalArgumentException("bytes are sealed by the minute, not one by one");
        }
        return canon.digest();
    }

    private void act(Act act) {
        if (act instanceof Act.Confirm a) {
            canon.add("confirm").add(a.step());
        } else if (act instanceof Act.Adjust a) {
            canon.add("adjust").add(a.step());
        } else if (act instanceof Act.CapOn a) {
            canon.add("cap-on").add(a.step());
        } else if (act instanceof Act.TakeNow a) {
            canon.add("take-now").add(a.step()).add(a.reason());
        } else if (act instanceof Act.Skip a) {
            canon.add("skip").add(a.step()).add(a.reason());
        } else if (act instanceof Act.Repeat a) {
            canon.add("repeat").add(a.step());
        } else if (act instanceof Act.Tick a) {
            canon.add("tick").add(a.step()).add(a.item()).add(a.done());
        } else if (act instanceof Act.Note a) {
            canon.add("note").add(a.step()).add(a.text());
        } else if (act instanceof Act.Plate a) {
            canon.add("plate");
            plate(a.plate());
        } else if (act instanceof Act.Person a) {
            canon.add("person").add(a.name());
        } else {
            clocking(act);
        }
    }

    private void clocking(Act act) {
        if (act instanceof Act.MeterDial a) {
            canon.add("meter-dial").add(a.step()).add(a.cubicFeet());
        } else if (act instanceof Act.PointerAtMark a) {
            canon.add("pointer-at-mark").add(a.step());
        } else if (act instanceof Act.Unmark a) {
            canon.add("unmark").add(a.step());
        } else if (act instanceof Act.EndRun a) {
            canon.add("end-run").add(a.step());
        } else if (act instanceof Act.DropRun a) {
            canon.add("drop-run").add(a.step()).add(a.reason());
        } else if (act instanceof Act.TakePressures a) {
            canon.add("take-pressures").add(a.step());
        } else if (act instanceof Act.Seen a) {
            canon.add("seen").add(a.notice());
        } else if (act instanceof Act.Entered a) {
            canon.add("entered").add(a.step()).add(a.role().name());
            canon.add(a.value()).add(a.unit().code()).add(a.halfWidth()).add(a.instrument());
        } else if (act instanceof Act.Former a) {
            canon.add("former").add(a.when());
            canon.each(
                    a.left(),
                    f -> canon.add(f.stage())
                            .add(f.role().name())
                            .add(f.value())
                            .add(f.expandedUncertainty())
                            .add(f.unit().code()));
        } else if (act instanceof Act.Instrument a) {
            instrument(a);
        } else if (act instanceof Act.Settings a) {
            canon.add("settings");
            choices(a.from());
            choices(a.to());
        } else if (act instanceof Act.GoOn a) {
            canon.add("go-on").add(a.why());
        } else if (act instanceof Act.Heat a) {
            canon.add("heat").add(a.heat().btuPerCubicFoot());
            canon.add(a.heat().relativeWidth()).add(a.heat().source());
        } else {
            throw new IllegalArgumentException("no sealed form for an act of " + act.getClass());
        }
    }

    private void instrument(Act.Instrument act) {
        InstrumentCard card = act.card();
        canon.add("instrument").add(card.serial()).add(card.name()).add(card.kind());
        canon.add(card.calibrated().map(LocalDate::toString).orElse(""));
        canon.add(card.due().map(LocalDate::toString).orElse(""));
        canon.each(
                card.points(),
                p -> canon.add(p.channel())
                        .add(p.trueValue())
                        .add(p.indicated())
                        .add(p.expandedUncertainty())
                        .add(p.unit().code()));
        canon.each(
                new TreeMap<>(act.places()).entrySet(),
                e -> canon.add(e.getKey().name()).add(e.getValue()));
        canon.add(act.saidByProbe());
    }

    byte[] reading(StageReading reading) {
        canon.add(reading.step()).add(reading.purpose()).add(reading.timeNanos());
        canon.add(reading.byHand()).add(reading.handReason());
        canon.each(reading.channels(), this::part);
        for (ChannelReading part : reading.channels()) {
            if (!part.rule().isEmpty()) {
                canon.add("rule").add(part.role().name()).add(part.rule());
            }
            FromInstrument own = part.instrument();
            if (!own.equals(FromInstrument.NONE)) {
                canon.add("instrument").add(part.role().name()).add(own.serial());
                canon.add(own.correction()).add(own.standardUncertainty()).add(own.remark());
            }
        }
        return canon.digest();
    }

    byte[] note(Note note) {
        canon.add(note.timeNanos().isPresent());
        note.timeNanos().ifPresent(canon::add);
        canon.add(note.writtenAt().getEpochSecond()).add((long) note.writtenAt().getNano());
        return canon.add(note.text()).digest();
    }

    byte[] attachment(Attachment attachment, byte[] contentDigest) {
        canon.add(attachment.name()).add(attachment.mediaType());
        canon.add(attachment.addedAt().getEpochSecond())
                .add((long) attachment.addedAt().getNano());
        return canon.add(contentDigest).digest();
    }

    private void part(ChannelReading part) {
        canon.add(part.role().name()).add(part.value());
        canon.add(part.standardUncertainty()).add(part.settleUncertainty());
        canon.add(part.zeroOffset()).add(part.unit().code());
        canon.add(part.fromNanos()).add(part.toNanos());
        canon.add(part.settled()).add(part.reason());
    }
}
