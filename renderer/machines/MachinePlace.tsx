export function MachinePlace({ machineId }: { readonly machineId: string }) {
  return <p>{machineId}</p>;
}
