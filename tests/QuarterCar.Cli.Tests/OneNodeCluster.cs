using System.ComponentModel;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

using QuarterCar.TestKit.Programs;

namespace QuarterCar.Cli.Tests;

/// <summary>Slurm on this machine alone: its daemons with a configuration, key, socket and state of their own in a temporary folder, stopped and removed afterwards.</summary>
internal sealed class OneNodeCluster : IDisposable
{
    // Ends as soon as the node is ready for jobs.
    private const string StartLines = """
        cd "$1"; export SLURM_CONF=$1/slurm.conf
        (umask 077; head -c 128 /dev/urandom > munge.key); mkdir -p state spool
        munged --force --key-file="$1/munge.key" --socket="$1/munge.socket" --pid-file="$1/munged.pid" --log-file="$1/munged.log" --seed-file="$1/munge.seed" </dev/null >started.log 2>&1
        slurmctld </dev/null >>started.log 2>&1; slurmd </dev/null >>started.log 2>&1
        for i in {1..60}; do [ "$(sinfo -h -o %T 2>/dev/null)" = idle ] && exit 0; sleep 0.25; done
        tail -n 3 *.log >&2; exit 1
        """;

    private const string StopLines = """
        cd "$1"
        for d in slurmd slurmctld munged; do [ -s $d.pid ] && p=$(cat $d.pid) && kill $p 2>/dev/null && for i in {1..40}; do kill -0 $p 2>/dev/null || break; sleep 0.25; done; done; true
        """;

    private static readonly Lazy<string?> s_refusal = new(() =>
    {
        using var cluster = new OneNodeCluster();
        return cluster._refusal;
    });

    private readonly string _folder = Directory.CreateTempSubdirectory("quartercar-cluster-").FullName;
    private readonly string? _refusal;

    /// <summary>Starts it.</summary>
    public OneNodeCluster()
    {
        File.WriteAllText(Configuration, Text());
        try
        {
            ProcessResult started = Bash(StartLines);
            _refusal = started.Code == 0 ? null : "the daemons of Slurm do not start here: " + started.Messages.ReplaceLineEndings(" ");
        }
        catch (Exception e) when (e is Win32Exception or TimeoutException)
        {
            _refusal = e.Message;
        }
    }

    /// <summary>Why its daemons do not start on this machine; null where they do.</summary>
    public static string? Refusal => s_refusal.Value;

    /// <summary>For SLURM_CONF.</summary>
    public string Configuration => Path.Combine(_folder, "slurm.conf");

    public void Dispose()
    {
        Bash(StopLines);
        Directory.Delete(_folder, recursive: true);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private ProcessResult Bash(string lines) =>
        ProgramProcess.End(Process.Start(new ProcessStartInfo("bash", ["-c", lines, "bash", _folder]) { RedirectStandardOutput = true, RedirectStandardError = true })!);

    // No cgroups, no accounting, nobody but the user of the tests: what a bare container allows.
    private string Text()
    {
        string host = Dns.GetHostName().Split('.')[0], user = System.Environment.UserName;
        return $"""
            ClusterName=one
            SlurmctldHost={host}(127.0.0.1)
            SlurmUser={user}
            SlurmdUser={user}
            AuthType=auth/munge
            AuthInfo=socket={_folder}/munge.socket
            SlurmctldPort={FreePort()}
            SlurmdPort={FreePort()}
            StateSaveLocation={_folder}/state
            SlurmdSpoolDir={_folder}/spool
            SlurmctldPidFile={_folder}/slurmctld.pid
            SlurmdPidFile={_folder}/slurmd.pid
            SlurmctldLogFile={_folder}/slurmctld.log
            SlurmdLogFile={_folder}/slurmd.log
            SlurmdParameters=config_overrides
            ProctrackType=proctrack/linuxproc
            TaskPlugin=task/none
            SelectType=select/cons_tres
            SelectTypeParameters=CR_Core
            SchedulerParameters=sched_interval=1,bf_interval=1
            JobAcctGatherType=jobacct_gather/none
            AccountingStorageType=accounting_storage/none
            MailProg=/bin/true
            ReturnToService=2
            NodeName={host} NodeAddr=127.0.0.1 CPUs=2 State=UNKNOWN
            PartitionName=all Nodes={host} Default=YES State=UP

            """;
    }
}

/// <summary>A fact that needs Slurm; skipped, with the reason, where its daemons are not installed or do not start.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class SlurmFactAttribute : InstalledFactAttribute
{
    public SlurmFactAttribute()
        : base("munged", "slurmctld", "slurmd", "sbatch")
    {
        if (Skip is null) Skip = OneNodeCluster.Refusal;
    }
}
