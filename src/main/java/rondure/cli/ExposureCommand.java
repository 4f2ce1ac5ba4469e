package rondure.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Tells, without any picture, how far stars will trail. */
@Command(
    name = "exposure",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = "Tells how far stars trail by exposure and aim, without pictures.",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {"0:done", "2:bad command"})
final class ExposureCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private Optics optics;

  @Override
  public Integer call() {
    Terminal terminal = Terminal.of(spec.commandLine());
    try {
      ExposurePage.of(optics).forEach(terminal::tell);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage());
    }
    return ExitCode.DONE;
  }
}
